/** A drawing in words, for those who cannot see it. */
import type { Sheet } from "../sheet/types.js";

export function describe(sheet: Sheet): string {
	const count = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;
	const parts = sheet.nodes.flatMap((node) =>
		node.what === "part" ? [`${node.label || node.kind} ${node.id}`] : [],
	);
	const joints = sheet.nodes.filter(({ what }) => what === "joint").length;
	return `Circuit drawing with ${count(sheet.wires.length, "wire", "wires")} and ${count(joints, "joint", "joints")}; parts: ${parts.join(", ") || "none"}. The wires are listed below it.`;
}
