/** The stub of a terminal, with the contact sign of IEC 60617 (socket and pin) where a connector housing holds it, and its name. */
import type { SheetPort, Side } from "../sheet/types.js";
import { STUB } from "./types.js";

interface StubProps {
	readonly port: SheetPort;
	readonly side: Side;
	readonly x: number;
	readonly y: number;
	/** Length of the lead into the body. */
	readonly into?: number;
	/** Text beside the wire; by default the contact's name. */
	readonly text?: string;
}

export function Stub({ port, side, x, y, into = STUB, text = port.name }: StubProps) {
	const inward = side === "north" ? 1 : -1;
	const plugged = port.connector !== "";
	return (
		<g data-contact={port.contact}>
			<circle className="draw-hit" cx={x} cy={y} r={18} />
			{plugged ? (
				<ContactSign x={x} y={y} inward={inward} into={into} />
			) : (
				<Lead x={x} y={y} to={inward * into} />
			)}
			{text !== "" && (
				<text className="draw-terminal" x={x + 6} y={y - (inward > 0 ? 4 : -12)}>
					{text}
				</text>
			)}
		</g>
	);
}

const Lead = ({ x, y, to }: { x: number; y: number; to: number }) => (
	<path className="draw-line" d={`M${x} ${y}v${to}`} />
);

/** Socket (arc) towards the loom, pin (bar) towards the part. */
function ContactSign({ x, y, inward, into }: { x: number; y: number; inward: number; into: number }) {
	const sweep = inward > 0 ? 1 : 0;
	return (
		<>
			<path className="draw-line" d={`M${x - 5} ${y + inward * 7}a5 5 0 0 ${sweep} 10 0`} />
			<rect className="draw-solid" x={x - 2} y={inward > 0 ? y + 5 : y - 12} width={4} height={7} rx={1} />
			<path
				className="draw-line"
				d={`M${x} ${y + inward * 12}V${y + inward * into}M${x} ${y}v${inward * 2}`}
			/>
		</>
	);
}
