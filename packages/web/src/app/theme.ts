/** Colours and sizes: copper for what is worked on, verdigris for what stands, every control a glove can hit. */
import {
	Button,
	createTheme,
	type MantineColorsTuple,
	NativeSelect,
	SegmentedControl,
	TextInput,
} from "@mantine/core";

const copper: MantineColorsTuple = [
	"#fdf1e8",
	"#f6ddca",
	"#edbb97",
	"#e39a63",
	"#d97f3d",
	"#c86a28",
	"#ad571d",
	"#8f4716",
	"#6e3711",
	"#4c260b",
];

const verdigris: MantineColorsTuple = [
	"#eef7f4",
	"#d8eae4",
	"#b0d6ca",
	"#84bfae",
	"#5ca893",
	"#3d8f79",
	"#2a7562",
	"#1f5d4e",
	"#17463b",
	"#0e2e27",
];

/** Warm-free greys, so that wire colours keep their own hue beside them. */
const slate: MantineColorsTuple = [
	"#e3e9e7",
	"#c3cdca",
	"#a3b0ac",
	"#82918d",
	"#5e6d69",
	"#3d4b47",
	"#2c3835",
	"#202a28",
	"#172020",
	"#0f1615",
];

export const theme = createTheme({
	primaryColor: "copper",
	primaryShade: { light: 7, dark: 3 },
	autoContrast: true,
	colors: { copper, verdigris, dark: slate },
	black: "#17211f",
	defaultRadius: "md",
	fontFamily: 'system-ui, "Segoe UI", "Noto Sans", "DejaVu Sans", sans-serif',
	fontFamilyMonospace: 'ui-monospace, "Cascadia Mono", "Noto Sans Mono", "DejaVu Sans Mono", monospace',
	headings: { fontWeight: "650" },
	components: {
		Button: Button.extend({ defaultProps: { size: "lg" } }),
		TextInput: TextInput.extend({ defaultProps: { size: "lg" } }),
		NativeSelect: NativeSelect.extend({ defaultProps: { size: "lg" } }),
		SegmentedControl: SegmentedControl.extend({ defaultProps: { size: "lg" } }),
	},
});
