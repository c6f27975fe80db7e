namespace Closemown.Turf;

/// <summary>What days and actions do to the canopy.</summary>
internal static class CanopySteps
{
    /// <summary>Turf grows, strays from its pattern and feels the weather.</summary>
    /// <param name="days">The days passed, the first and last as the share of them that passed.</param>
    /// <param name="fullMm">The species' full rate, mm a day: the scale of spells.</param>
    /// <param name="heldRateMm">The rate as now believed, mm a day: the scale of a day's noise.</param>
    /// <param name="heldCanopyMm">The canopy as now believed less the height the full rate is told for, mm.</param>
    /// <param name="slows">Given what the days would grow, mm a unit of each constant, the share of it that grows: less than 1 near the height of an unmown sward.</param>
    public static CanopyStep Grow(
        IReadOnlyList<(TurfDay Day, double Share)> days, double fullMm, double heldRateMm, double heldCanopyMm,
        Func<GrowthParts, double> slows)
    {
        double growth = 0, fed = 0, wide = 0, dry = 0, noise = 0, unread = 0, passed = 0, kept = 1, asked = 0;
        foreach (var (day, share) in days)
        {
            var g = day.Growth * share;
            growth += g;
            fed += g * day.NitrogenGm2;
            wide += day.Wide * share;
            dry += day.Dry * share;
            noise += heldRateMm * g * AreaDefaults.DayShareSd * heldRateMm * g * AreaDefaults.DayShareSd;
            unread += heldRateMm * day.GrowthSd * share * heldRateMm * day.GrowthSd * share;
            passed += share;
            var stays = Math.Exp(-share / AreaDefaults.StressDays);
            asked = (asked * stays) + ((1 - stays) * day.Stress.Greatest);
            kept *= stays;
        }
        var grows = slows(new(growth, fed, wide, dry));
        (growth, fed, wide, dry) = (growth * grows, fed * grows, wide * grows, dry * grows);
        (noise, unread) = (noise * grows * grows, unread * grows * grows);
        var step = new CanopyStep();
        step.Constant(CanopyLayout.Canopy, CanopyLayout.Rate, growth)
            .Constant(CanopyLayout.Canopy, CanopyLayout.Feed, fed)
            .Constant(CanopyLayout.Canopy, CanopyLayout.Wide, wide)
            .Constant(CanopyLayout.Canopy, CanopyLayout.Dry, dry)
            .Constant(CanopyLayout.Canopy, CanopyLayout.Tall, growth * heldCanopyMm)
            .Also(CanopyLayout.Canopy, CanopyLayout.Spell, growth)
            // Days nobody read are alike: a week of them is warmer or colder together.
            .Noise(CanopyLayout.Canopy, Math.Sqrt(noise + (unread * Math.Min(5, Math.Max(1, days.Count / 2.0)))));
        var spell = Math.Exp(-passed / AreaDefaults.SpellDays);
        step.Keep(CanopyLayout.Spell, spell).Noise(CanopyLayout.Spell, fullMm * AreaDefaults.SpellShareSd * Math.Sqrt(1 - (spell * spell)));
        step.Keep(CanopyLayout.Stress, kept).Constant(CanopyLayout.Stress, CanopyLayout.Feels, asked)
            .Noise(CanopyLayout.Stress, AreaDefaults.StressStraySd * Math.Sqrt(1 - (kept * kept)));
        return step;
    }

    /// <summary>A mowing brings the turf to the cut.</summary>
    /// <param name="cutMm">The cut as set or told, mm.</param>
    public static CanopyStep Mow(double cutMm) => new CanopyStep()
        .From(CanopyLayout.Before, CanopyLayout.Canopy)
        .From(CanopyLayout.Canopy, CanopyLayout.Offset).Add(CanopyLayout.Canopy, cutMm).Noise(CanopyLayout.Canopy, AreaDefaults.CutMm)
        .Noise(CanopyLayout.Offset, AreaDefaults.OffsetWalkMm);

    /// <summary>A mowing that passed over the tips.</summary>
    public static CanopyStep PassOver() => new CanopyStep().From(CanopyLayout.Before, CanopyLayout.Canopy).Noise(CanopyLayout.Canopy, AreaDefaults.CutMm);

    /// <summary>Another unit mows, or a first mowing whose cut is known badly.</summary>
    public static CanopyStep NewOffset(double sdMm) => new CanopyStep().Noise(CanopyLayout.Offset, sdMm);

    /// <summary>What leaves a mark on the plant at once.</summary>
    public static CanopyStep Hurt(double stress) => new CanopyStep().Add(CanopyLayout.Stress, stress).Noise(CanopyLayout.Stress, stress / 2);

    /// <summary>Something happened that nobody entered: height and growth are known less well.</summary>
    public static CanopyStep Doubt(double canopySdMm, double spellSdMm) => new CanopyStep().Noise(CanopyLayout.Canopy, canopySdMm).Noise(CanopyLayout.Spell, spellSdMm);
}
