/** What the build does to the finished jar; no test, and no part of the program. */
package sparewell.jar;
