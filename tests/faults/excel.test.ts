import { faultsBeside } from "./beside";

faultsBeside("Excel");
