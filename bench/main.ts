/**
 * Measures one topic.
 *
 * Usage: npm run -s bench -- TOPIC [--json]
 * With --json one line per figure: {"figure","value","unit","goal","holds"}, where goal and holds are null for a
 * figure without a goal. Exit code 2 when there is no such topic; a missed goal is a result, not an error.
 */
import { readdirSync } from "node:fs";
import { cpus } from "node:os";
import { jsonLine, type Topic, tableLine } from "./figure.js";

const folder = new URL("topics/", import.meta.url);
const topics = readdirSync(folder)
	.filter((name) => name.endsWith(".ts") && !name.endsWith(".test.ts"))
	.map((name) => name.slice(0, -3))
	.sort();

const words = process.argv.slice(2);
const json = words.includes("--json");
const [topic, ...rest] = words.filter((word) => word !== "--json");

if (topic === undefined || rest.length > 0 || !topics.includes(topic)) {
	if (topic !== undefined && rest.length === 0) console.error(`There is no topic "${topic}".`);
	console.error(`Usage: npm run -s bench -- TOPIC [--json]\nTopics: ${topics.join(", ")}`);
	process.exit(2);
}

const print = json ? jsonLine : tableLine;
if (!json)
	console.log(`${topic}: Node ${process.versions.node}, ${cpus().length} x ${cpus()[0]?.model ?? "cpu"}\n`);
const { run } = (await import(new URL(`${topic}.ts`, folder).href)) as Topic;
for await (const figure of await run()) console.log(print(figure));
