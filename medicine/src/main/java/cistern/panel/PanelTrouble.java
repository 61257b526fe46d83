package cistern.panel;

import cistern.finding.Problem;

/** What can be wrong with a pair of CSF and serum; the folder lists every trouble. */
public sealed interface PanelTrouble extends Problem
    permits BloodContaminatedCsf,
        CellFractionsOverOne,
        CompartmentsSwapped,
        CsfMissing,
        DrawsFarApart,
        ImplausibleValue,
        NotLumbar,
        PlasmaExchange,
        QuotientOutsideRange,
        RecentImmunoglobulin,
        ResultBeforeDraw,
        SerumAlbuminLow,
        SerumIggLow,
        SerumMissing,
        UnitSlipSuspected {}
