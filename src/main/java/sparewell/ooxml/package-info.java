/**
 * Opens .xlsx and .xlsm files as containers of parts, whatever their names, and refuses damaged,
 * hostile and other files with a plain message.
 *
 * <p>Knows neither cells nor output sheets. Nothing is unpacked to disk or fetched.
 */
package sparewell.ooxml;
