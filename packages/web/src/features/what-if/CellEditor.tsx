/** Another content for one cell: a size from the shelf, a contact or ground picked, or typed. */
import { Button, TextInput, UnstyledButton } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { PointPicker } from "../../shared/PointPicker.js";
import { SIZES } from "./subjects.js";

interface CellEditorProps {
	readonly table: string;
	readonly column: string;
	readonly was: string;
	readonly onCell: (cell: string) => void;
}

export function CellEditor(props: CellEditorProps) {
	if (props.column === "size") return <SizeEditor {...props} />;
	if (props.column === "from" || props.column === "to") return <EndEditor {...props} />;
	return <TextEditor {...props} />;
}

const SizeEditor = ({ was, onCell }: CellEditorProps) => (
	<div className="stack">
		<fieldset className="sizes" aria-label="Size in mm²">
			{SIZES.filter((size) => size !== was).map((size) => (
				<UnstyledButton key={size} className="cell" onClick={() => onCell(size)}>
					<strong>{size}</strong>
					<span className="soft">mm²</span>
				</UnstyledButton>
			))}
		</fieldset>
	</div>
);

/** Ground points at one touch; any other contact or joint by search. */
function EndEditor({ was, onCell }: CellEditorProps) {
	const { joints } = useCar().car.converted;
	const grounds = [...joints.values()].filter(({ kind, id }) => kind === "ground" && id !== was);
	return (
		<div className="stack">
			<PointPicker which="converted" label="Another contact or joint" value="" onPick={onCell} />
			<fieldset className="sizes" aria-label="Ground points">
				{grounds.map(({ id, place }) => (
					<UnstyledButton key={id} className="cell" onClick={() => onCell(id)}>
						<strong className="mono">{id}</strong>
						<span className="soft">{place}</span>
					</UnstyledButton>
				))}
			</fieldset>
		</div>
	);
}

function TextEditor({ column, was, onCell }: CellEditorProps) {
	const [text, setText] = useState(was);
	return (
		<form
			className="cell-form"
			onSubmit={(event) => {
				event.preventDefault();
				onCell(text.trim());
			}}
		>
			<TextInput
				label={`What would stand in ${column}`}
				autoComplete="off"
				value={text}
				onChange={(event) => setText(event.currentTarget.value)}
			/>
			<Button type="submit" disabled={text.trim() === was}>
				What happens?
			</Button>
		</form>
	);
}
