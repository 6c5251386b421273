import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import { contract } from "./contract";
import { contractBook } from "./contract-book";

contract(
  "a file",
  async () => {
    const port = new FilePort(openXlsx(contractBook()));
    return { port, state: async () => Buffer.from(port.file.bytes).toString("base64") };
  },
  { refused: "=1+", computes: true },
);
