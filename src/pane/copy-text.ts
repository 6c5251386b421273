/** Copies a text and says how that went. Excel's web view may keep the clipboard to itself; a selected text can still be copied by hand. */
export async function copyText(text: string, shown: Element): Promise<string> {
  try {
    await navigator.clipboard.writeText(text);
    return "Copied";
  } catch {
    getSelection()?.selectAllChildren(shown);
    return "Selected: press Ctrl+C, or Cmd+C on a Mac, to copy";
  }
}
