package cistern.cohort;

import cistern.differential.Proportion;
import cistern.finding.FindingCode;
import java.util.Optional;

/**
 * What a site's own people without the disease say about the limit of one finding.
 *
 * @param code the finding
 * @param estimate the limits of the site, or why there are none
 * @param byAge the line in age under which the upper limit lies, where there are enough people
 * @param outside how many of these people the limit in force calls above; none when it called
 *     nobody anything
 * @param verified whether the limit in force stands for these people; none when they are too few
 */
public record SiteLimit(
    FindingCode code,
    ReferenceLimits.Estimate estimate,
    Optional<AgeLine> byAge,
    Optional<Proportion> outside,
    Optional<VerifiedLimit> verified) {}
