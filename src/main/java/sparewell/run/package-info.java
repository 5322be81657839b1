/** The one place that wires reading, analyses, rendering and saving together. */
package sparewell.run;
