import type { Surroundings } from "../fault";
import { all, resource, value } from "../find";
import { pngSize } from "../png";
import type { Element } from "../xml";

const SIZES = [16, 20, 24, 32, 40, 48, 64, 80];

export function iconFaults(root: Element, { base, file }: Surroundings): readonly string[] {
  const claimed = all(root, "Icon").flatMap((icon) => icon.children.map((image) => [resource(root, image), Number(image.attributes["size"])] as const));
  const icons = new Map([...claimed, [value(root, "IconUrl"), 32] as const, [value(root, "HighResolutionIconUrl"), 64] as const].map((icon) => [icon.join(), icon]));
  return [
    ...all(root, "Icon").flatMap((icon) => {
      const sizes = icon.children.map((image) => Number(image.attributes["size"]));
      return [
        ...[16, 32, 80].filter((size) => !sizes.includes(size)).map((size) => `An <Icon> lacks its size ${size}: 16, 32 and 80 are asked for`),
        ...sizes.filter((size) => !SIZES.includes(size)).map((size) => `An <Icon> has a size ${size}: the sizes are ${SIZES.join(", ")}`),
      ];
    }),
    ...[...icons.values()].flatMap(([address, size]) => {
      const picture = file(address.slice(base.length));
      if (!picture) return [];
      const is = pngSize(picture);
      if (!is) return [`${address} is not a PNG picture`];
      return is.width === size && is.height === size ? [] : [`${address} is ${is.width} × ${is.height}: it is named for ${size} × ${size}`];
    }),
  ];
}
