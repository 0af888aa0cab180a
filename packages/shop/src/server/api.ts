/** What the routes work with. */
import type { FastifyInstance, FastifyPluginAsync } from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import { z } from "zod";
import type { JobRow } from "../store/schema.js";
import type { Store } from "../store/store.js";
import type { SetUp } from "./access/guard.js";
import type { Calculator } from "./calculator/calculator.js";
import type { Cars } from "./cars.js";
import type { Live } from "./live.js";
import { Problem } from "./problem.js";

export interface Shop {
	readonly store: Store;
	readonly cars: Cars;
	readonly calculator: Calculator;
	readonly live: Live;
	readonly setUp: SetUp;
}

/** A group of routes. */
export type Routes = (shop: Shop) => FastifyPluginAsync;

/** The server with its routes' types taken from their schemas. */
export const typed = (app: FastifyInstance) => app.withTypeProvider<ZodTypeProvider>();

export const jobParams = z.object({ job: z.string().describe("the job's id") });

/** @throws Problem 404 */
export async function jobOf(store: Store, id: string): Promise<JobRow> {
	const job = await store.job(id);
	if (job) return job;
	throw new Problem(404, `there is no job '${id}'`, "GET /api/v1/jobs lists the jobs there are.");
}
