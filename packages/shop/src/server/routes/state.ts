/** How a job stands, derived from its history. */
import { z } from "zod";
import { jobState } from "../../people/state.js";
import { acceptedFinding } from "../../store/entry/kinds.js";
import { jobOf, jobParams, type Routes, typed } from "../api.js";
import { problemResponses } from "../problem.js";

const entry = z.string().describe("id of the entry");

const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();

const stateSchema = z.object({
	place: z.number().int().describe("of the newest entry it takes in"),
	steps: list(
		z.object({
			step: z.string(),
			sort: z.string().describe("empty: not known"),
			done: list(z.object({ entry, person: z.string(), time: z.string() })),
			signatures: list(
				z.object({
					entry,
					person: z.string(),
					account: z.string(),
					ability: z.enum(["alone", "second"]),
					time: z.string(),
				}),
			),
			needs: z.number().int().describe("how many people must sign"),
			complete: z.boolean(),
			missing: z.string().describe("what it waits for, in words; empty when complete"),
		}),
	),
	holds: list(
		z.object({
			entry,
			step: z.string().describe("empty: the whole job"),
			text: z.string(),
			person: z.string(),
			time: z.string(),
			lifted: z.string().describe("id of the entry that lifted it; empty while it is on"),
		}),
	),
	clashes: list(
		z.object({
			step: z.string(),
			entries: z.tuple([entry, entry]).readonly(),
			people: z.tuple([z.string(), z.string()]).readonly(),
			settled: z
				.string()
				.describe("id of a later entry by someone who knew of both; empty: nobody has looked"),
		}),
	).describe("entries on one step by writers who did not know of each other's"),
	corrected: z.record(z.string(), z.string()).describe("entries taken back, to the correction"),
	accepted: list(entry).describe("acceptances of the car that stand"),
	acceptedFindings: list(
		acceptedFinding.extend({
			entry,
			person: z.string(),
			account: z.string(),
			role: z.string().describe("of the person, as it was then"),
			time: z.string(),
		}),
	).describe("findings that someone accepted as they were then; another finding is not covered by it"),
});

export const stateRoutes: Routes =
	({ store }) =>
	async (instance) => {
		typed(instance).get(
			"/jobs/:job/state",
			{
				config: { right: "look" },
				schema: {
					tags: ["history"],
					summary: "How the job stands: steps, signatures, holds, clashes",
					description: "Derived from the history alone, in the order of causes; clocks have no say.",
					params: jobParams,
					response: { 200: stateSchema, ...problemResponses },
				},
			},
			async ({ params }) => {
				const job = await jobOf(store, params.job);
				const entries = await store.entries(job.id);
				return { place: entries.at(-1)?.place ?? 0, ...jobState(entries) };
			},
		);
	};
