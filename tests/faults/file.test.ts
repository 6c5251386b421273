import { faultsBeside } from "./beside";

faultsBeside("file");
