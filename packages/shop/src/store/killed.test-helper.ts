/** A program that writes notes for ever and says on stdout which are stored. Arguments: database file, job. */
import { Store } from "./store.js";

const [file, job] = process.argv.slice(2) as [string, string];
const store = await Store.open(file);
for (let n = 1; ; n += 1) {
	await store.append(job, { id: `k${n}`, person: "Kim", kind: "note", body: { text: `note ${n}` } });
	process.stdout.write(`k${n}\n`);
}
