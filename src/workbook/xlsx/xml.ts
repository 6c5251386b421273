/** What a writer of whole parts needs; those who read and patch take it from where it is. */
export { encodeXml, SPREADSHEET } from "./xml-part";
export { encodeAttribute, encodeText } from "./xml-text";
