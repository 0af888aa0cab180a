/** A program that signs off steps for ever and says on stdout which are stored. Arguments: database, job, prefix of the ids. */
import { Store } from "./store.js";

const [where, job, prefix] = process.argv.slice(2) as [string, string, string];
const store = await Store.open(where);
for (let n = 1; ; n += 1) {
	const id = `${prefix}-${n}`;
	await store.append(job, { id, person: "Kim", kind: "sign-off", body: { step: `recipe/${n}` } });
	process.stdout.write(`${id}\n`);
}
