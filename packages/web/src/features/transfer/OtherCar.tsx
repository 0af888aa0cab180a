/** Which other car: a job of the shop, or the table files of a car that is no job yet. */
import { Button, FileButton, UnstyledButton } from "@mantine/core";
import { useRef, useState } from "react";
import type { JobSummary } from "../../server/types.js";
import { readFiles, TABLE_FILES } from "../../shared/read-files.js";

export interface PickedCar {
	readonly name: string;
	readonly tables: Readonly<Record<string, string>>;
}

interface OtherCarProps {
	readonly jobs: readonly JobSummary[];
	/** Id of the job chosen; empty: none. */
	readonly chosen: string;
	/** Name of the car picked as files; empty: none. */
	readonly picked: string;
	readonly onJob: (id: string) => void;
	readonly onFiles: (car: PickedCar) => void;
}

export function OtherCar({ jobs, chosen, picked, onJob, onFiles }: OtherCarProps) {
	const [wrong, setWrong] = useState("");
	const forget = useRef<() => void>(null);
	const take = async (files: readonly File[]) => {
		const read = await readFiles(files);
		// The same files, mended, may be chosen again.
		forget.current?.();
		const unread = read.filter(({ text }) => text === undefined).map(({ name }) => name);
		setWrong(unread.length > 0 ? `Not UTF-8: ${unread.join(", ")}. Save it as CSV UTF-8.` : "");
		if (unread.length > 0 || read.length === 0) return;
		const tables = Object.fromEntries(read.map(({ name, text = "" }) => [name.toLowerCase(), text]));
		onFiles({ name: `${read.length} files of this tablet`, tables });
	};
	return (
		<section className="stack" aria-label="Which other car">
			<p className="lead">
				Another car of the kind may differ by market, steering side or equipment. Each step is held against
				what it would find there.
			</p>
			<div className="cars">
				{jobs.map(({ id, title }) => (
					<UnstyledButton key={id} className="cell" aria-pressed={id === chosen} onClick={() => onJob(id)}>
						<strong>{title}</strong>
						<span className="soft">a job of this shop</span>
					</UnstyledButton>
				))}
				<FileButton resetRef={forget} multiple accept={TABLE_FILES} onChange={(files) => void take(files)}>
					{(props) => (
						<Button {...props} variant="default">
							{picked === "" ? "A car from its table files" : `${picked}: choose others`}
						</Button>
					)}
				</FileButton>
			</div>
			{jobs.length === 0 && picked === "" && (
				<p className="soft">
					This shop has no other job. Choose the tables of the other car: parts.csv, contacts.csv, wires.csv
					and whatever else it has.
				</p>
			)}
			{wrong && (
				<p className="notice" data-tone="stop" role="alert">
					{wrong}
				</p>
			)}
		</section>
	);
}
