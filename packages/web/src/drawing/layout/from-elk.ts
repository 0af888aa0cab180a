/** What the layout found, put beside the drawing's data. */
import type { ElkNode } from "elkjs/lib/elk-api.js";
import type { Sheet } from "../sheet/types.js";
import { symbolOf } from "../symbols/index.js";
import { wireText } from "./to-elk.js";
import type { PlacedSheet, Point } from "./types.js";

export function fromElk(sheet: Sheet, laid: ElkNode): PlacedSheet {
	const nodes = new Map(laid.children?.map((child) => [child.id, child]));
	const edges = new Map(laid.edges?.map((edge) => [edge.id, edge]));
	return {
		width: laid.width ?? 0,
		height: laid.height ?? 0,
		nodes: sheet.nodes.map((node) => {
			const { x = 0, y = 0 } = nodes.get(node.id) ?? {};
			return { node, shape: symbolOf(node).shape(node), x, y };
		}),
		wires: sheet.wires.map((wire) => {
			const edge = edges.get(wire.id);
			const points = (edge?.sections ?? []).flatMap(({ startPoint, bendPoints = [], endPoint }): Point[] => [
				startPoint,
				...bendPoints,
				endPoint,
			]);
			const label = edge?.labels?.[0];
			const textAt = label?.x === undefined || label.y === undefined ? undefined : { x: label.x, y: label.y };
			return { wire, points, text: wireText(wire), textAt };
		}),
	};
}
