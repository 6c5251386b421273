/** How Excel is told about a manifest on this machine. */
export const loadingHelp = (manifest: string): string => `The manifest is ${manifest}

Excel on Windows
  1. Put the manifest in a folder of its own, and share that folder (its Properties, Sharing).
  2. In Excel: File, Options, Trust Center, Trust Center Settings, Trusted Add-in Catalogs.
     Add the folder's network path (\\\\computer\\folder), tick Show in Menu, and start Excel again.
  3. Home, Add-ins, Advanced, Shared Folder: choose Lotwright.

Excel on a Mac
  1. Copy the manifest into ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef
     (make the folder wef where it is missing), and start Excel again.
  2. Home, Add-ins: choose Lotwright.

Excel on the web, in a browser on this machine
  1. Open a workbook. Home, Add-ins, More Settings, Upload My Add-in.
  2. Choose the manifest.

Then type =LOT.COPPER(10,"lb") in a cell. For more, and for an office: src/excel/README.md`;
