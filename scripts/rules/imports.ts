import { parseSync } from "vite";

/** What one module asks of others and of its host. */
export interface ModuleUse {
	/** Import and re-export targets as written, type imports too. */
	readonly imports: readonly { readonly target: string; readonly line: number; readonly typeOnly: boolean }[];
	/** Names of the host it uses, such as `Date` or `Math.random`. */
	readonly hostNames: readonly { readonly name: string; readonly line: number }[];
}

/** Names that read a clock, draw at random or reach outside. */
const HOST = new Set(["Date", "performance", "process", "fetch", "crypto", "require", "globalThis"]);

type Node = { readonly type: string; readonly start: number } & Record<string, unknown>;

const isNode = (value: unknown): value is Node =>
	typeof value === "object" && value !== null && typeof (value as Node).type === "string";

const nameOf = (value: unknown): string | undefined =>
	isNode(value) && value.type === "Identifier" ? (value.name as string) : undefined;

/** A name after a dot, or as the key of a property, is not the host's. */
const isMereKey = (node: Node, key: string): boolean =>
	(key === "property" && node.type === "MemberExpression" && node.computed === false) ||
	(key === "key" && node.computed === false) ||
	node.type.startsWith("TS");

/**
 * Reads one TypeScript module.
 *
 * @throws SyntaxError naming the file when it does not parse
 */
export function readModule(path: string, text: string): ModuleUse {
	const { program, errors } = parseSync(path, text);
	if (errors[0]) throw new SyntaxError(`${path}: ${errors[0].message}`);
	const imports: { target: string; line: number; typeOnly: boolean }[] = [];
	const hostNames: { name: string; line: number }[] = [];
	const lineOf = (node: Node): number => text.slice(0, node.start).split("\n").length;

	const visit = (node: Node): void => {
		const source = node.source;
		if (isNode(source) && typeof source.value === "string") {
			const typeOnly = node.importKind === "type" || node.exportKind === "type" || node.type.startsWith("TS");
			imports.push({ target: source.value, line: lineOf(node), typeOnly });
		}
		if (
			node.type === "MemberExpression" &&
			nameOf(node.object) === "Math" &&
			nameOf(node.property) === "random"
		)
			hostNames.push({ name: "Math.random", line: lineOf(node) });
		for (const [key, value] of Object.entries(node)) {
			for (const child of Array.isArray(value) ? value : [value]) {
				if (!isNode(child)) continue;
				const name = nameOf(child);
				if (name && HOST.has(name) && !isMereKey(node, key)) hostNames.push({ name, line: lineOf(child) });
				visit(child);
			}
		}
	};
	visit(program as unknown as Node);
	return { imports, hostNames };
}
