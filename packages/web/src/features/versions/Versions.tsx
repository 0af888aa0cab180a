/** The versions of the recipe: who changed it, when, what is different; and bringing in tables. */
import { useCar } from "../../app/car.js";
import { useSettings } from "../../app/use-setting.js";
import { ChoosingPage, useVersions } from "../../shared/ChoosingPage.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { ListAndDetail } from "../../shared/ListAndDetail.js";
import { broughtWords } from "../../shared/version-words.js";
import { Working } from "../../shared/Working.js";
import { BringIn } from "./BringIn.js";
import { VersionDetail } from "./VersionDetail.js";

export function Versions() {
	const { recipe } = useCar();
	const versions = useVersions();
	const [query, set] = useSettings();
	const chosen = query.get("version") ?? "";
	const open = versions.data?.find(({ version }) => String(version) === chosen);
	return (
		<ChoosingPage stage="versions" title="Versions of the recipe">
			<BringIn />
			{versions.error ? (
				<FaultNotice
					title="The versions cannot be fetched"
					error={versions.error}
					again={() => versions.refetch()}
				/>
			) : !versions.data ? (
				<Working what="Fetching the versions" />
			) : (
				<ListAndDetail
					label="Versions"
					rows={versions.data.toReversed().map((one) => ({
						id: String(one.version),
						title: `Version ${one.version}`,
						text: [broughtWords(one), one.changed.join(", ")].filter(Boolean).join(": "),
						end: one.version === recipe.version ? "on screen" : "",
						endLabel: one.version === recipe.version ? "The one every page here speaks of" : "",
						tone: one.version === recipe.version ? "note" : "",
					}))}
					open={open ? chosen : ""}
					onOpen={(version) => set({ version, since: "" })}
					empty="There is no version."
				>
					{open && <VersionDetail key={chosen} version={open} all={versions.data} />}
				</ListAndDetail>
			)}
		</ChoosingPage>
	);
}
