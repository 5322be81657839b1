package sparewell.rates;

import java.util.function.UnaryOperator;
import sparewell.experience.Pool;

/**
 * The experience of other logs, with this log's own rows taken out.
 *
 * @param pool their rows, summed by key
 * @param source what the angler knows it by, such as the file's name
 * @param fold the form of a name in which names are compared
 */
public record Others(Pool pool, String source, UnaryOperator<String> fold) {}
