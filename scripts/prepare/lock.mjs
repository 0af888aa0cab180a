import { closeSync, openSync, readFileSync, rmSync, writeSync } from "node:fs";
import { setTimeout as sleep } from "node:timers/promises";

/** @param {number} pid */
function alive(pid) {
	try {
		process.kill(pid, 0);
		return true;
	} catch (error) {
		return /** @type {NodeJS.ErrnoException} */ (error).code === "EPERM";
	}
}

/** @param {string} file */
function take(file) {
	try {
		const handle = openSync(file, "wx");
		writeSync(handle, String(process.pid));
		closeSync(handle);
		return true;
	} catch (error) {
		if (/** @type {NodeJS.ErrnoException} */ (error).code !== "EEXIST") throw error;
		return false;
	}
}

/** @param {string} file @returns {number} the holder's process id, 0 while it is being written or gone */
function holder(file) {
	try {
		return Number(readFileSync(file, "utf8"));
	} catch {
		return 0;
	}
}

/**
 * Runs work while no other process prepares the same tree: two terminals may start at once. A lock whose
 * process is gone is taken over.
 *
 * @param {string} file
 * @param {(sentence: string) => void} tell
 * @param {() => void} work
 */
export async function withLock(file, tell, work) {
	for (let waited = 0; !take(file); waited++) {
		const pid = holder(file);
		if (pid > 0 && !alive(pid)) rmSync(file, { force: true });
		else if (waited === 0) tell("Another command is preparing this tree. Waiting for it.");
		await sleep(100);
	}
	try {
		work();
	} finally {
		rmSync(file, { force: true });
	}
}
