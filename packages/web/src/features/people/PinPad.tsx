/** A PIN entered by large keys or the keyboard. */
import { Button, TextInput } from "@mantine/core";
import { useState } from "react";

const KEYS = ["1", "2", "3", "4", "5", "6", "7", "8", "9"];
const MOST = 12;
const LEAST = 6;

interface PinPadProps {
	readonly label: string;
	readonly action: string;
	readonly busy: boolean;
	readonly onPin: (pin: string) => void;
}

export function PinPad({ label, action, busy, onPin }: PinPadProps) {
	const [pin, setPin] = useState("");
	const become = (text: string) => setPin(text.replace(/\D/g, "").slice(0, MOST));
	const enter = () => {
		if (pin.length < LEAST) return;
		setPin("");
		onPin(pin);
	};
	return (
		<form
			className="pin-pad"
			onSubmit={(event) => {
				event.preventDefault();
				enter();
			}}
		>
			<TextInput
				type="password"
				inputMode="numeric"
				autoComplete="off"
				label={label}
				description="6 to 12 digits"
				value={pin}
				onChange={(event) => become(event.currentTarget.value)}
			/>
			<div className="pin-keys">
				{KEYS.map((key) => (
					<Button key={key} variant="default" onClick={() => become(pin + key)}>
						{key}
					</Button>
				))}
				<Button variant="default" onClick={() => become(pin.slice(0, -1))} aria-label="Delete the last digit">
					⌫
				</Button>
				<Button variant="default" onClick={() => become(`${pin}0`)}>
					0
				</Button>
				<Button type="submit" disabled={pin.length < LEAST || busy}>
					{action}
				</Button>
			</div>
		</form>
	);
}
