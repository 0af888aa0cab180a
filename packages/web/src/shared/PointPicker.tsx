/** Picks a contact, joint or the body: by connector or part, or by any words. */
import type { Which } from "@loomwright/engine";
import { Button, Checkbox, Modal, NativeSelect, TextInput, UnstyledButton } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../app/car.js";
import { homesOf, pointsOf, searchPoints } from "./points.js";
import { WireSwatch } from "./WireSwatch.js";

interface PointPickerProps {
	readonly which: Which;
	readonly label: string;
	/** Contact, `CONTACT!pin`, joint or `body`; empty for none yet. */
	readonly value: string;
	readonly onPick: (point: string) => void;
}

const SHOWN = 80;

export function PointPicker({ which, label, value, onPick }: PointPickerProps) {
	const [open, setOpen] = useState(false);
	const points = pointsOf(useCar().car[which]);
	const [plain, pin] = value.endsWith("!pin") ? [value.slice(0, -4), true] : [value, false];
	const point = points.find(({ id }) => id === plain);
	return (
		<div className="point stack">
			<UnstyledButton className="point-button" onClick={() => setOpen(true)}>
				<span className="point-label">{label}</span>
				{point ? (
					<>
						<span className="point-name mono">
							{point.id} {point.colours.length > 0 && <WireSwatch colours={point.colours} />}
						</span>
						<span className="soft">{point.text}</span>
					</>
				) : (
					<span className="point-name">
						{value === "" ? "Tap to choose" : `${value} is not in this loom`}
					</span>
				)}
			</UnstyledButton>
			{point?.id.includes(".") && (
				<Checkbox
					size="lg"
					className="tall"
					label="at the part's own pin"
					checked={pin}
					onChange={(event) => onPick(event.currentTarget.checked ? `${plain}!pin` : plain)}
				/>
			)}
			<Modal
				opened={open}
				onClose={() => setOpen(false)}
				title={label}
				size="xl"
				closeButtonProps={{ "aria-label": "Close", size: "xl" }}
			>
				<PointSearch
					which={which}
					onPick={(id) => {
						onPick(id);
						setOpen(false);
					}}
				/>
			</Modal>
		</div>
	);
}

function PointSearch({ which, onPick }: { which: Which; onPick: (id: string) => void }) {
	const points = pointsOf(useCar().car[which]);
	const [text, setText] = useState("");
	const [home, setHome] = useState("");
	const [most, setMost] = useState(SHOWN);
	const found = searchPoints(points, text, home);
	return (
		<div className="stack">
			<div className="filter">
				<TextInput
					data-autofocus
					label="Search"
					placeholder="contact, cavity, part or colour"
					value={text}
					onChange={(event) => setText(event.currentTarget.value)}
				/>
				<NativeSelect
					label="Connector or part"
					value={home}
					data={[{ value: "", label: "all" }, ...homesOf(points)]}
					onChange={(event) => setHome(event.currentTarget.value)}
				/>
			</div>
			<ul className="row-list">
				{found.slice(0, most).map(({ id, text: words, colours }) => (
					<li key={id}>
						<UnstyledButton className="row" onClick={() => onPick(id)}>
							<span className="row-main">
								<strong className="mono">{id}</strong>
								<span className="soft">{words}</span>
							</span>
							{colours.length > 0 && <WireSwatch colours={colours} />}
						</UnstyledButton>
					</li>
				))}
			</ul>
			{found.length === 0 && <p>Nothing in this loom has these words.</p>}
			{found.length > most && (
				<Button variant="default" onClick={() => setMost(most + SHOWN)}>
					Show more of {found.length}
				</Button>
			)}
		</div>
	);
}
