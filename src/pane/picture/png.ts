/**
 * A drawing as the bytes of a PNG on white, `scale` times as fine as it is shown. The drawing stands for itself: what
 * it would load from elsewhere is left out. The page's policy has to allow images from data: addresses.
 */
export async function pngOf(svg: string, width: number, height: number, scale = 2): Promise<Uint8Array> {
  const image = await loaded(`data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`);
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const brush = canvas.getContext("2d");
  if (!brush) throw new Error("Cannot draw the picture: this browser gives no canvas. The sheet can be written without it");
  brush.fillStyle = "#ffffff";
  brush.fillRect(0, 0, canvas.width, canvas.height);
  brush.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((give) => canvas.toBlob(give, "image/png"));
  if (!blob) throw new Error(`Cannot draw the picture: ${canvas.width} × ${canvas.height} pixels are too many for this browser`);
  return new Uint8Array(await blob.arrayBuffer());
}

const loaded = (address: string): Promise<HTMLImageElement> =>
  new Promise((give, refuse) => {
    const image = new Image();
    image.onload = () => give(image);
    image.onerror = () => refuse(new Error("Cannot draw the picture: this page may not show drawings. The sheet can be written without it"));
    image.src = address;
  });
