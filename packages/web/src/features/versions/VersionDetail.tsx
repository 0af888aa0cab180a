/** One version held against another; taken again, or saved as tables. */
import { Button, NativeSelect } from "@mantine/core";
import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { useSettings } from "../../app/use-setting.js";
import {
	type KeptVersion,
	readVersion,
	readVersionChanges,
	type TableChangesWanted,
} from "../../server/choosing.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { ReplaceTables } from "../../shared/ReplaceTables.js";
import { RowChanges } from "../../shared/RowChanges.js";
import { saveText } from "../../shared/save-text.js";
import { broughtWords } from "../../shared/version-words.js";
import { Working } from "../../shared/Working.js";
import { count, duration } from "../../shared/words.js";

interface VersionDetailProps {
	readonly version: KeptVersion;
	/** Oldest first. */
	readonly all: readonly KeptVersion[];
}

/** Differences of the loom drawn at once. */
const MOST = 60;

export function VersionDetail({ version, all }: VersionDetailProps) {
	const [query, set] = useSettings();
	const others = all.filter((one) => one.kept && one.version !== version.version);
	const before = others.findLast((one) => one.version < version.version) ?? others.at(-1);
	const since = others.find((one) => String(one.version) === query.get("since")) ?? before;
	return (
		<article className="stack">
			<h2>Version {version.version}</h2>
			<p>{broughtWords(version)}</p>
			{!version.kept ? (
				<p className="notice" data-tone="warn">
					Its tables were replaced before replaced tables were kept. Look for them in a backup of that time.
				</p>
			) : (
				<>
					<Tables version={version} newest={all.at(-1)?.version === version.version} />
					{since && (
						<NativeSelect
							label="Held against"
							value={String(since.version)}
							data={others.map((one) => ({
								value: String(one.version),
								label: `version ${one.version}, ${broughtWords(one)}`,
							}))}
							onChange={(event) => set({ since: event.currentTarget.value })}
						/>
					)}
					{since && <Differences version={version.version} since={since.version} />}
				</>
			)}
		</article>
	);
}

function Differences({ version, since }: { version: number; since: number }) {
	const { job } = useCar();
	const changes = useQuery({
		queryKey: ["version-changes", job.id, version, since],
		queryFn: () => readVersionChanges(job.id, version, since),
		staleTime: Number.POSITIVE_INFINITY,
	});
	if (changes.error)
		return <FaultNotice title="They cannot be held against each other" error={changes.error} />;
	if (!changes.data) return <Working what="Applying both to the car" />;
	const { tables, changes: loom, minutes, misfits } = changes.data;
	const more = minutes.after - minutes.before;
	return (
		<>
			<p className="soft">
				From version {since} to version {version}:{" "}
				{Math.abs(more) < 0.5
					? "as much work"
					: `${duration(Math.abs(more))} ${more > 0 ? "more" : "less"} work`}
				, {count(loom.length, "difference")} in the loom as converted
				{misfits.length > 0 && `, ${count(misfits.length, "step")} that would not fit the car`}.
			</p>
			<RowChanges tables={tables} />
			{loom.length > 0 && (
				<details className="fold">
					<summary>In the loom as converted: {count(loom.length, "difference")}</summary>
					<ul className="plain-list">
						{loom.slice(0, MOST).map(({ kind, text }) => (
							<li key={kind + text}>
								<span className="soft">{kind}</span> {text}
							</li>
						))}
					</ul>
					{loom.length > MOST && <p>and {loom.length - MOST} more.</p>}
				</details>
			)}
		</>
	);
}

function Tables({ version, newest }: { version: KeptVersion; newest: boolean }) {
	const { job, tables: now } = useCar();
	const [again, setAgain] = useState(false);
	const whole = useQuery({
		queryKey: ["version", job.id, version.version],
		queryFn: () => readVersion(job.id, version.version),
		staleTime: Number.POSITIVE_INFINITY,
	});
	const own = whole.data?.tables ?? {};
	return (
		<div className="stack">
			{!newest && !again && <Button onClick={() => setAgain(true)}>Take this version again</Button>}
			<details className="fold">
				<summary>Save its tables</summary>
				<div className="buttons">
					{Object.entries(own).map(([name, text]) => (
						<Button key={name} variant="default" onClick={() => saveText(name, text)}>
							Save {name}
						</Button>
					))}
				</div>
			</details>
			{again && whole.data && (
				<ReplaceTables
					tables={againTables(own, now)}
					confirm={`Take version ${version.version} again`}
					onCancel={() => setAgain(false)}
				/>
			)}
		</div>
	);
}

/** What came since goes again. */
function againTables(
	own: Readonly<Record<string, string>>,
	now: Readonly<Record<string, string>>,
): TableChangesWanted {
	const came = Object.keys(now).filter((name) => OF_RECIPE.test(name) && !Object.hasOwn(own, name));
	return { ...Object.fromEntries(came.map((name) => [name, null])), ...own };
}

const OF_RECIPE = /^(recipe|new-parts|new-contacts|new-joints|targets|costs|places)\./;
