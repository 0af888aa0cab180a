/** The shop's own repairs, counted over all its jobs. */
import { z } from "zod";
import { RECORD_KINDS, repairsOf } from "../../repairs/record.js";
import { type Routes, typed } from "../api.js";
import { problemResponses } from "../problem.js";

const repairsSchema = z.object({
	cars: z.number().int().describe("with a repair, or accepted"),
	work: z
		.array(z.object({ person: z.string(), cars: z.number() }))
		.describe("who did the steps of the recipe on them: shares of a car, added up"),
	repairs: z.array(
		z.object({
			entry: z.string().describe("id of the entry"),
			job: z.string(),
			fault: z.string(),
			kind: z.string(),
			where: z.string(),
			steps: z.array(z.string()).describe("of the recipe that had worked on it"),
			worked: z.string().describe("who had done them; empty: not known, or nobody"),
			person: z.string().describe("who found it"),
			time: z.string(),
			takenBack: z.string().describe("id of the correction that took it out; empty: it counts"),
		}),
	),
});

export const repairRoutes: Routes =
	({ store }) =>
	async (instance) => {
		typed(instance).get(
			"/repairs",
			{
				config: { right: "read" },
				schema: {
					tags: ["history"],
					summary: "The shop's own repairs, over all its jobs",
					description:
						"What finding counts into the chances of the faults. A correction entry takes one out.",
					response: { 200: repairsSchema, ...problemResponses },
				},
			},
			async () => {
				const { cars, work, repairs } = repairsOf(await store.entriesOfKinds(RECORD_KINDS));
				return {
					cars,
					work: work.map((one) => ({ ...one })),
					repairs: repairs.map((one) => ({ ...one, steps: [...one.steps] })),
				};
			},
		);
	};
