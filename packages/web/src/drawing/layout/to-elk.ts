/** The drawing's data as a graph for the layered layout: supply side up, ports where the symbols have them. */
import type { ElkExtendedEdge, ElkNode } from "elkjs/lib/elk-api.js";
import type { Sheet, SheetEnd, SheetNode, SheetWire } from "../sheet/types.js";
import { type Shape, symbolOf } from "../symbols/index.js";
import { labelWidth } from "../symbols/text.js";
import { BAR_PITCH } from "../symbols/types.js";

const LAYOUT = {
	"elk.algorithm": "layered",
	"elk.direction": "DOWN",
	"elk.edgeRouting": "ORTHOGONAL",
	"elk.spacing.nodeNode": "34",
	"elk.spacing.edgeNode": "20",
	"elk.spacing.edgeEdge": "18",
	"elk.spacing.edgeLabel": "6",
	"elk.spacing.componentComponent": "60",
	// Only bars leave their ports to the layout.
	"elk.spacing.portPort": String(BAR_PITCH),
	"elk.spacing.portsSurrounding": `[top=${BAR_PITCH / 2},left=0,bottom=0,right=0]`,
	"elk.layered.spacing.nodeNodeBetweenLayers": "24",
	"elk.layered.spacing.edgeNodeBetweenLayers": "16",
	"elk.layered.spacing.edgeEdgeBetweenLayers": "16",
	"elk.layered.nodePlacement.strategy": "NETWORK_SIMPLEX",
	"elk.layered.nodePlacement.favorStraightEdges": "true",
	"elk.layered.crossingMinimization.greedySwitch.type": "TWO_SIDED",
	"elk.layered.thoroughness": "20",
	"elk.edgeLabels.inline": "false",
	"elk.padding": "[top=28,left=24,bottom=24,right=24]",
	// The same drawing every time.
	"elk.randomSeed": "1",
};

export const wireText = (wire: SheetWire): string => `${wire.colours.join("")} ${wire.mm2}`.trim();

/** Id of a port in the layout graph; contacts may have the name of a node, so they get a mark. */
export const portId = (node: string, terminal: string): string => `${node}|${terminal}`;

export function toElk(sheet: Sheet): ElkNode {
	const upper = new Set(sheet.wires.map((wire) => wire.upper.node));
	const lower = new Set(sheet.wires.map((wire) => wire.lower.node));
	const bars = new Set(sheet.nodes.flatMap((node) => (isBar(node) ? [node.id] : [])));
	return {
		id: "sheet",
		layoutOptions: LAYOUT,
		children: sheet.nodes.map((node) => elkNode(node, symbolOf(node).shape(node), upper, lower)),
		edges: sheet.wires.map((wire) => elkEdge(wire, bars)),
	};
}

function elkNode(
	node: SheetNode,
	shape: Shape,
	upper: ReadonlySet<string>,
	lower: ReadonlySet<string>,
): ElkNode {
	return {
		id: node.id,
		width: shape.width,
		height: shape.height,
		layoutOptions: {
			...portRule(shape),
			...layerOf(node, upper.has(node.id), lower.has(node.id)),
		},
		ports: shape.terminals.map(({ id, side, x, y }) => ({
			id: portId(node.id, id),
			x,
			y,
			width: 0,
			height: 0,
			layoutOptions: { "elk.port.side": side === "north" ? "NORTH" : "SOUTH" },
		})),
	};
}

/** Terminals stay where the symbol has them; on a bar they may change places. */
const portRule = ({ sliding = false }: Shape): Record<string, string> =>
	sliding
		? { "elk.portConstraints": "FIXED_SIDE", "elk.portAlignment.default": "BEGIN" }
		: { "elk.portConstraints": "FIXED_POS" };

/** Sources first and ground points last, where no wire runs against it. */
function layerOf(node: SheetNode, isUpper: boolean, isLower: boolean): Record<string, string> {
	const key = "elk.layered.layering.layerConstraint";
	if (node.what === "part" && (node.kind === "battery" || node.kind === "generator") && !isLower)
		return { [key]: "FIRST" };
	if (node.what === "joint" && node.kind === "ground" && !isUpper) return { [key]: "LAST" };
	return {};
}

function elkEdge(wire: SheetWire, bars: ReadonlySet<string>): ElkExtendedEdge {
	const text = wireText(wire);
	const terminal = (end: SheetEnd, free: string) =>
		portId(end.node, end.port || (bars.has(end.node) ? wire.id : free));
	return {
		id: wire.id,
		sources: [terminal(wire.upper, "south")],
		targets: [terminal(wire.lower, "north")],
		labels: [{ id: `${wire.id}|label`, text, width: labelWidth(text) + 4, height: 14 }],
	};
}

const isBar = (node: SheetNode) => node.what === "joint" && node.kind === "bar";
