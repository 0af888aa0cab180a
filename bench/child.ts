/** A fresh process of `inFreshProcesses`: imports a module, calls one function, prints its result as JSON. Compiles as the command line does. */
import "../packages/cli/src/compile-late.js";

const [module, name] = process.argv.slice(2);
const exported = (await import(module as string)) as Record<string, () => unknown>;
console.log(JSON.stringify(await exported[name as string]?.()));
