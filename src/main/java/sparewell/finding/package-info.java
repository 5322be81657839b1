/**
 * What the analyser has to say about the angler's input and about its own results, as data.
 *
 * <p>Every finding names its place as the angler sees it. Imports nothing of the project.
 */
package sparewell.finding;
