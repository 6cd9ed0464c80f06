import type { Section } from '../record/sections.ts';
import type { Flow } from './flow.ts';

/** Puts one kind of section into the flow. */
export type Draw<K extends Section['kind']> = (flow: Flow, section: Extract<Section, { kind: K }>) => void;
