import type { Picture } from "../port";

/** A picture on its way onto a sheet, and the shape that it became. */
export interface WrittenPicture {
  readonly picture: Picture;
  shape: string | null;
}

/** Excel measures in points; where a cell begins is known only when the columns before it have their widths. */
export async function addPictures(context: Excel.RequestContext, pictures: readonly WrittenPicture[]): Promise<void> {
  for (const written of pictures) {
    const { sheet, at, png, width, height, alt } = written.picture;
    const worksheet = context.workbook.worksheets.getItem(sheet);
    const { left, top } = await loaded(context, worksheet.getRange(at).load(["left", "top"]));
    // Alone in its request: when that fails there is no picture, and when it succeeds its shape is known.
    const shape = await loaded(context, worksheet.shapes.addImage(base64(png)).load("id"));
    written.shape = shape.id;
    shape.lockAspectRatio = false;
    shape.left = left;
    shape.top = top;
    shape.width = width * 0.75;
    shape.height = height * 0.75;
    shape.altTextDescription = alt;
  }
}

async function loaded<T>(context: Excel.RequestContext, object: T): Promise<T> {
  await context.sync();
  return object;
}

export async function deletePictures(context: Excel.RequestContext, pictures: readonly WrittenPicture[]): Promise<void> {
  const added = new Map(pictures.flatMap(({ picture, shape }) => (shape === null ? [] : [[shape, picture.sheet]])));
  const shapes = [...new Set(added.values())].map((sheet) => context.workbook.worksheets.getItem(sheet).shapes.load("items/id"));
  if (shapes.length > 0) await context.sync();
  for (const { items } of shapes) for (const shape of items) if (added.has(shape.id)) shape.delete();
}

function base64(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}
