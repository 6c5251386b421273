import type { HostColours, PaneHost } from "./pane-host";

/** Dresses an element in the host's own colours, where the host tells them. */
export function followColours(root: HTMLElement, host: PaneHost): () => void {
  const unfollow = host.onColours?.(({ ground, text }) => {
    root.dataset["scheme"] = schemeOf({ ground, text });
    root.style.setProperty("--host-ground", ground);
    root.style.setProperty("--host-text", text);
  });
  return () => {
    unfollow?.();
    delete root.dataset["scheme"];
    root.style.removeProperty("--host-ground");
    root.style.removeProperty("--host-text");
  };
}

/** Excel may be dark on a light desktop and the other way round, so its own ground decides. */
export const schemeOf = ({ ground, text }: HostColours): "light" | "dark" => (lightness(ground) >= lightness(text) ? "light" : "dark");

/** The eye takes most of a colour's lightness from its green and least from its blue. */
function lightness(colour: string): number {
  const [, red = "0", green = "0", blue = "0"] = /^#?([\da-f]{2})([\da-f]{2})([\da-f]{2})/i.exec(colour) ?? [];
  return 0.2126 * parseInt(red, 16) + 0.7152 * parseInt(green, 16) + 0.0722 * parseInt(blue, 16);
}
