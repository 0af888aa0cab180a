/** The wires of a drawing as buttons: the way to them without the drawing. */
import { UnstyledButton } from "@mantine/core";
import { WireSwatch } from "../../shared/WireSwatch.js";
import { count } from "../../shared/words.js";
import type { SheetEnd, SheetWire } from "../sheet/types.js";

interface WireListProps {
	readonly wires: readonly SheetWire[];
	readonly selected: string;
	readonly onWire: (wire: string) => void;
}

const endText = ({ node, port }: SheetEnd) => port || (node.includes("@") ? "loose end" : node);

export function WireList({ wires, selected, onWire }: WireListProps) {
	return (
		<details className="fold">
			<summary>{count(wires.length, "wire")} in this drawing</summary>
			<ul className="row-list">
				{wires.map((wire) => (
					<li key={wire.id}>
						<UnstyledButton
							className="row"
							aria-pressed={wire.id === selected}
							onClick={() => onWire(wire.id)}
						>
							<WireSwatch colours={wire.colours} />
							<span className="mono">{wire.id}</span>
							<span className="soft">
								{wire.colours.join("")} {wire.mm2} mm², {endText(wire.upper)} to {endText(wire.lower)}
							</span>
						</UnstyledButton>
					</li>
				))}
			</ul>
		</details>
	);
}
