/** Takes a photo with the tablet's camera, or from its pictures. */
import { Button } from "@mantine/core";
import { useRef } from "react";

interface TakePhotoProps {
	/** What it shows, for who cannot see the button's place. */
	readonly title: string;
	readonly onPicture: (picture: Blob) => void;
}

export function TakePhoto({ title, onPicture }: TakePhotoProps) {
	const input = useRef<HTMLInputElement>(null);
	return (
		<>
			<Button variant="default" aria-label={`Photo: ${title}`} onClick={() => input.current?.click()}>
				Photo
			</Button>
			<input
				ref={input}
				hidden
				type="file"
				accept="image/jpeg,image/png,image/webp"
				capture="environment"
				onChange={({ currentTarget }) => {
					const picture = currentTarget.files?.[0];
					if (picture) onPicture(picture);
					// So that the same picture can be chosen again.
					currentTarget.value = "";
				}}
			/>
		</>
	);
}
