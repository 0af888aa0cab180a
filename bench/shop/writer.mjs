/** Signs off steps for ever once told to, and says on stdout which are stored. Arguments: database, job, prefix of the ids. */
import { once } from "node:events";

// As compiled: hundreds of these are started.
const compiled = new URL("../../packages/shop/dist/store/store.js", import.meta.url);
const { Store } = await import(compiled.href);
const [where, job, prefix] = process.argv.slice(2);
const store = await Store.open(where);
await once(process.stdin, "data");
for (let n = 1; ; n += 1) {
	const id = `${prefix}-${n}`;
	await store.append(job, { id, person: "Kim", kind: "sign-off", body: { step: `recipe/${n}` } });
	process.stdout.write(`${id}\n`);
}
