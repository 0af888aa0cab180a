/** The oldest Node that every package here accepts. */
const OLDEST_NODE = [20, 19];

/**
 * @param {string} version as in process.versions.node
 * @returns {string | undefined} what to do, when this Node is too old
 */
export function oldNode(version) {
	const [major = 0, minor = 0] = version.split(".").map(Number);
	const [needMajor = 0, needMinor = 0] = OLDEST_NODE;
	if (major > needMajor || (major === needMajor && minor >= needMinor)) return undefined;
	return `Node ${version} is too old. Install Node ${OLDEST_NODE.join(".")} or newer and run the command again.`;
}

/** What a failing install says, and what then helps. First match counts. */
const INSTALL_CAUSES = /** @type {const} */ ([
	[
		/EUSAGE|can only install packages when your package\.json and package-lock\.json/,
		"package.json and package-lock.json do not fit together. Run `npm install` and commit the lock file.",
	],
	[/ENOSPC/, "The disk is full. The packages need about 500 MB; free some space and run the command again."],
	[
		/EACCES|EPERM|EROFS/,
		"A folder cannot be written. Give your user the rights to this folder and to npm's cache (`npm config get cache`).",
	],
	[
		/node-gyp|gyp ERR!|make: \*\*\*/,
		"better-sqlite3 had no ready-made file for this machine and could not be compiled. It needs a C++ compiler, make " +
			"and Python 3. Debian or Ubuntu: `apt-get install build-essential python3`. macOS: `xcode-select --install`. " +
			"Windows: the Visual Studio Build Tools with 'Desktop development with C++'. Without a network it also needs " +
			"Node's headers: `npm config set nodedir /usr` where /usr/include/node exists.",
	],
	[
		/ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|network|socket hang up/i,
		"The package registry could not be reached. The first run needs a network. Check the connection, or set npm's " +
			"`proxy` or `registry`, and run the command again.",
	],
	[
		/EINTEGRITY/,
		"A downloaded package is damaged. Run `npm cache clean --force` and then the command again.",
	],
	[/ENOENT.*npm|spawn npm/, "npm was not found. It comes with Node; install Node again with npm."],
]);

/**
 * Says in plain words why `npm ci` failed.
 *
 * @param {string} output everything npm printed
 * @returns {string} cause and remedy, or a pointer to the output when the cause is none we know
 */
export function installFailure(output) {
	for (const [pattern, advice] of INSTALL_CAUSES) if (pattern.test(output)) return advice;
	return "npm could not install the packages. Its own words are above.";
}
