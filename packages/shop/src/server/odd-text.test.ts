import { expect, test } from "vitest";
import { readFolder } from "../folder/read-folder.js";
import { onEveryDatabase } from "../store/databases.test-helper.js";
import { temporaryFolder } from "../store/temporary.test-helper.js";
import { buildApp } from "./app.js";
import { SMALL_CAR } from "./server.test-helper.js";

const ODD = ["a\0b", "a\ud800b", "\udc00"];

onEveryDatabase((place) => {
	test("text that no database gives back as it took it is refused, so that the history's hashes hold", async (context) => {
		const { store } = await place.store(context);
		const { title, tables, practice } = readFolder(SMALL_CAR);
		const { id } = await store.addJob({ title, source: "", tables, practice });
		const app = await buildApp({ store, web: temporaryFolder(), report: (error) => console.error(error) });
		const status = async (method: "POST" | "PUT", url: string, payload: object | string, type?: string) => {
			const headers = type ? { "content-type": type } : {};
			return (await app.inject({ method, url: `/api/v1/${url}`, payload, headers })).statusCode;
		};
		for (const odd of ODD) {
			const note = { kind: "note", body: { text: "x" }, person: "Kim" };
			for (const more of [{ person: odd }, { device: odd }, { account: odd }, { body: { text: odd } }])
				expect(await status("POST", `jobs/${id}/entries`, { ...note, ...more })).toBe(400);
			expect(await status("POST", "setup", { name: odd, pin: "270385" })).toBe(400);
			const table = `${tables["wires.csv"]}${odd}`;
			expect(await status("PUT", `jobs/${id}/tables`, { tables: { "wires.csv": table } })).toBe(400);
			await expect(
				store.append(id, { ...note, id: `odd-${odd}`, kind: "note", device: odd }),
			).rejects.toThrow(/cannot be stored/);
		}
		// Signs beyond the first plane are no lone surrogates.
		const said = { kind: "note", body: { text: "🚗 𝄞" }, person: "Kím 🔧", device: "轎車" };
		expect(await status("POST", `jobs/${id}/entries`, said)).toBe(201);
		expect(await store.verify(id)).toBeUndefined();
		expect((await store.entries(id)).map(({ person, device }) => [person, device])).toEqual([
			["Kím 🔧", "轎車"],
		]);
		await app.close();
	});
});
