import { faultsBeside } from "./beside";

faultsBeside("grid");
