/** Light or dark, as the bay needs it. */
import { Button, useComputedColorScheme, useMantineColorScheme } from "@mantine/core";

export function SchemeSwitch() {
	const { setColorScheme } = useMantineColorScheme();
	const dark = useComputedColorScheme("light", { getInitialValueInEffect: false }) === "dark";
	return (
		<Button className="head-scheme" variant="default" onClick={() => setColorScheme(dark ? "light" : "dark")}>
			{dark ? "Light" : "Dark"}
		</Button>
	);
}
