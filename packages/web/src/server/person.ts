/** Who is at this tablet; kept on the tablet. */
import { useLocalStorage } from "@mantine/hooks";

export const NOBODY = "not named";

/** The name as typed, and how to change it. */
export function usePerson(): [string, (name: string) => void] {
	const [person, setPerson] = useLocalStorage({ key: "loomwright-person", defaultValue: "" });
	return [person, setPerson];
}
