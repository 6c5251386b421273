/** Takes a file that is dropped anywhere on the page, which a browser would otherwise show in the page's place. */
export function watchDrops(root: HTMLElement, open: (file: File) => void): void {
  const hasFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes("Files") ?? false;
  root.addEventListener("dragover", (event) => {
    if (!hasFile(event)) return;
    event.preventDefault();
    root.classList.add("dropping");
  });
  for (const end of ["dragleave", "drop", "dragend"] as const) root.addEventListener(end, () => root.classList.remove("dropping"));
  root.addEventListener("drop", (event) => {
    if (!hasFile(event)) return;
    event.preventDefault();
    const [file] = event.dataTransfer?.files ?? [];
    if (file) open(file);
  });
}
