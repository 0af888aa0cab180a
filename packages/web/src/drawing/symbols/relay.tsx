/** Relay: coil (IEC 60617 07-15-01) and change-over contact (07-02-04), coupled; terminals after DIN 72552. */
import type { SheetPart, SheetPort, Side } from "../sheet/types.js";
import { Stub } from "./stub.js";
import { Label, labelWidth, Name, nameWidth, wrap } from "./text.js";
import { type Shape, STUB, type SymbolDefinition, terminalAt } from "./types.js";

const HEIGHT = 2 * STUB + 56;
const COIL_X = 30;
const COMMON_X = 104;
const linesOf = (part: SheetPart) => wrap(part.label, 18, 3);
const other = (side: Side): Side => (side === "north" ? "south" : "north");

/** The coil's pins lie opposite each other, and so do the common contact and its throws. */
function sides(part: SheetPart): ReadonlyMap<string, { port: SheetPort; side: Side; x: number }> {
	const port = (role: string) => part.ports.find((p) => p.role === role);
	const common = port("30")?.side ?? "north";
	const coil = port("86")?.side ?? other(port("85")?.side ?? "south");
	const throws = port("87a") ? COMMON_X + 22 : COMMON_X;
	const places: [string, Side, number][] = [
		["86", coil, COIL_X],
		["85", other(coil), COIL_X],
		["30", common, COMMON_X],
		["87a", other(common), COMMON_X - 22],
		["87", other(common), throws],
	];
	const found = places.flatMap(([role, side, x]) => {
		const p = port(role);
		return p ? [[role, { port: p, side, x }] as const] : [];
	});
	return new Map(found);
}

export const relay: SymbolDefinition<SheetPart> = {
	title: "Relay",
	shape(part): Shape {
		const placed = [...sides(part).values()];
		const text = Math.max(nameWidth(part.id), labelWidth("pulled in"), ...linesOf(part).map(labelWidth));
		return {
			width: COMMON_X + 40 + text,
			height: HEIGHT,
			terminals: placed.map(({ port, side, x }) => terminalAt(port, side, x, side === "north" ? 0 : HEIGHT)),
		};
	},
	draw(part) {
		const placed = sides(part);
		const lines = linesOf(part);
		const pulled = part.state === "pulled";
		const text = COMMON_X + 36;
		return (
			<>
				{[...placed.values()].map(({ port, side, x }) => (
					<Stub
						key={port.contact}
						port={port}
						side={side}
						x={x}
						y={side === "north" ? 0 : HEIGHT}
						into={30}
						text={port.role}
					/>
				))}
				<rect className="draw-body" x={COIL_X - 17} y={HEIGHT / 2 - 11} width={34} height={22} />
				<path
					className="draw-line"
					d={`M${COIL_X} ${STUB}V${HEIGHT / 2 - 11}M${COIL_X} ${HEIGHT / 2 + 11}V${HEIGHT - STUB}`}
				/>
				<g transform={placed.get("30")?.side === "south" ? `translate(0 ${HEIGHT}) scale(1 -1)` : undefined}>
					<Contact rest={placed.has("87a")} drawn={part.state === "pulled in"} />
				</g>
				<Name x={text} y={HEIGHT / 2 - 7 * lines.length}>
					{part.id}
				</Name>
				{[...lines, pulled ? "pulled out" : part.state].filter(Boolean).map((line, k) => (
					<Label key={line} x={text} y={HEIGHT / 2 - 7 * lines.length + 15 * (k + 1)}>
						{line}
					</Label>
				))}
			</>
		);
	},
};

/** The blade comes from above; `drawn`: the coil has pulled it. */
function Contact({ rest, drawn }: { rest: boolean; drawn: boolean }) {
	const foot = HEIGHT - 30;
	const head = 30;
	const tip = rest ? (drawn ? 20 : -20) : drawn ? 0 : -14;
	return (
		<>
			<path className="draw-line" d={`M${COMMON_X} ${head}L${COMMON_X + tip} ${foot}`} />
			<path className="draw-line draw-link" d={`M${COIL_X + 17} ${HEIGHT / 2}H${COMMON_X + tip / 2}`} />
		</>
	);
}
