package cistern.exchange.workup;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a result may say beside its value.
 *
 * @param cv analytical imprecision, a fraction
 * @param assay the method
 * @param at when it was measured
 */
record Details(OptionalDouble cv, Optional<String> assay, Optional<OffsetDateTime> at) {}
