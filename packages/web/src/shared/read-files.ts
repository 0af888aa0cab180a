/** Files picked on the tablet, as text. */

export interface ReadFile {
	readonly name: string;
	/** Undefined: it is not UTF-8. */
	readonly text: string | undefined;
}

export const readFiles = (files: readonly File[]): Promise<ReadFile[]> =>
	Promise.all(files.map(async (file) => ({ name: file.name, text: decode(await file.arrayBuffer()) })));

function decode(bytes: ArrayBuffer): string | undefined {
	try {
		return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
	} catch {
		return undefined;
	}
}

/** Table files, as a picker of files names them. */
export const TABLE_FILES = ".csv,.tsv,.tab,.txt,text/csv,text/tab-separated-values,text/plain";
