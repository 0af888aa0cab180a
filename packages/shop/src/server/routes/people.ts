/** The people of the shop and the matrix of what each may sign. */
import { z } from "zod";
import { ABILITIES, abilitiesOf, ROLES } from "../../people/abilities.js";
import { SORTS } from "../../people/sorts.js";
import { supervised } from "../../people/state.js";
import {
	abilitiesSet,
	addPerson,
	changePerson,
	findPerson,
	listPeople,
	setAbility,
} from "../../store/people.js";
import type { PersonRow } from "../../store/schema.js";
import { closeSessionsOf } from "../../store/sessions.js";
import type { Store } from "../../store/store.js";
import { hashPin, pinSchema } from "../access/pins.js";
import { type Routes, typed } from "../api.js";
import { newId } from "../new-id.js";
import { Problem, problemResponses } from "../problem.js";

const cellSchema = z.object({
	sort: z.enum(SORTS),
	ability: z.enum(ABILITIES).describe("second: together with someone who may sign alone"),
	because: z.enum(["role", "practice", "owner"]),
	supervised: z.number().int().describe("steps signed under supervision so far"),
	critical: z.boolean().describe("two people answer for such a step, whoever they are"),
});

const personSchema = z.object({
	id: z.string(),
	name: z.string(),
	role: z.enum(ROLES),
	active: z.boolean().describe("false: may no longer sign in"),
	abilities: z.array(cellSchema),
});

const name = z.string().trim().min(1).max(60);
const params = z.object({ person: z.string().describe("the person's id") });
const tags = ["people"];

export const peopleRoutes: Routes =
	({ store }) =>
	async (instance) => {
		const app = typed(instance);
		const one = async (id: string) => withAbilities(store, await personOf(store, id));

		app.get(
			"/people",
			{
				config: { right: "read" },
				schema: {
					tags,
					summary: "Everyone, with what each may sign",
					response: { 200: z.object({ people: z.array(personSchema) }), ...problemResponses },
				},
			},
			async () => {
				const people = await store.read(listPeople);
				return { people: await Promise.all(people.map((person) => withAbilities(store, person))) };
			},
		);

		app.post(
			"/people",
			{
				config: { right: "manage" },
				schema: {
					tags,
					summary: "Adds a person",
					body: z.object({ name, role: z.enum(ROLES), pin: pinSchema }),
					response: { 201: personSchema, ...problemResponses },
				},
			},
			async ({ body }, reply) => {
				const row = { id: newId(), name: body.name, role: body.role, pin: await hashPin(body.pin) };
				await store.write((trx, time) => addPerson(trx, row, time));
				return reply.code(201).send(await one(row.id));
			},
		);

		app.patch(
			"/people/:person",
			{
				config: { right: "manage" },
				schema: {
					tags,
					summary: "Changes a person's name, role or PIN, or whether they may sign in",
					description: "A new PIN, another role, or no leave to sign in ends their sessions.",
					params,
					body: z.object({
						name: name.optional(),
						role: z.enum(ROLES).optional(),
						pin: pinSchema.optional(),
						active: z.boolean().optional(),
					}),
					response: { 200: personSchema, ...problemResponses },
				},
			},
			async ({ params: { person: id }, body }) => {
				await personOf(store, id);
				const pin = body.pin === undefined ? {} : { pin: await hashPin(body.pin), misses: 0, wait_until: "" };
				await store.write(async (trx) => {
					await changePerson(trx, id, {
						...(body.name === undefined ? {} : { name: body.name }),
						...(body.role === undefined ? {} : { role: body.role }),
						...(body.active === undefined ? {} : { active: body.active ? 1 : 0 }),
						...pin,
					});
					const left = await listPeople(trx);
					if (!left.some(({ role, active }) => role === "owner" && active === 1))
						throw new Problem(
							409,
							"the shop would be left without an owner",
							"First make someone else owner.",
						);
					if (body.role !== undefined || body.pin !== undefined || body.active === false)
						await closeSessionsOf(trx, id);
				});
				return one(id);
			},
		);

		app.put(
			"/people/:person/abilities",
			{
				config: { right: "manage" },
				schema: {
					tags,
					summary: "Sets what a person may sign of one sort of step",
					params,
					body: z.object({
						sort: z.enum(SORTS),
						ability: z.enum(ABILITIES).nullable().describe("null: what follows from role and practice"),
					}),
					response: { 200: personSchema, ...problemResponses },
				},
			},
			async ({ params: { person: id }, body }) => {
				await personOf(store, id);
				await store.write((trx) => setAbility(trx, id, body.sort, body.ability ?? undefined));
				return one(id);
			},
		);
	};

async function personOf(store: Store, id: string): Promise<PersonRow> {
	const person = await store.read((db) => findPerson(db, id));
	if (person) return person;
	throw new Problem(404, `there is no person '${id}'`, "GET /api/v1/people lists them.");
}

async function withAbilities(
	store: Store,
	{ id, name, role, active }: PersonRow,
): Promise<z.infer<typeof personSchema>> {
	const set = await store.read((db) => abilitiesSet(db, id));
	const histories = await store.entriesOfKinds(["step", "sign-off", "correction"]);
	const abilities = abilitiesOf(role, set, supervised(id, histories.values()));
	return { id, name, role, active: active === 1, abilities };
}
