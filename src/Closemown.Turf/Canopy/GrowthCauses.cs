namespace Closemown.Turf;

/// <summary>What may lie behind growth out of its pattern, from the days since the last mowing.</summary>
internal static class GrowthCauses
{
    private const double Dry = 0.8, Felt = 0.5, Spent = 0.3;

    /// <summary>The causes, the likeliest first; that the reading or the cut was otherwise is always among them.</summary>
    /// <param name="days">The days since the turf was last known.</param>
    /// <param name="under">Whether it grew less than expected.</param>
    public static IReadOnlyList<GrowthCause> Of(IReadOnlyList<TurfDay> days, bool under)
    {
        var causes = new List<GrowthCause>();
        if (days.Count > 0)
        {
            var last = days[^1];
            if (under)
            {
                if (days.Min(d => d.Ks) < Dry) causes.Add(GrowthCause.Drought);
                if (days.Average(d => d.Stress.Cold) > Felt) causes.Add(GrowthCause.Cold);
                if (days.Average(d => d.Stress.Heat) > Felt) causes.Add(GrowthCause.Heat);
                if (last.RegulatorCDays is not null) causes.Add(GrowthCause.Regulator);
                if (last.NitrogenGm2 < Spent) causes.Add(GrowthCause.Hungry);
                if (days.Count > 2) causes.Add(GrowthCause.MownUnsaid);
            }
            else
            {
                if (last.NitrogenGm2 > 1) causes.Add(GrowthCause.Fed);
                if (days[0].RegulatorCDays is not null && last.RegulatorCDays is null) causes.Add(GrowthCause.Regulator);
            }
        }
        causes.Add(GrowthCause.CutOtherwise);
        causes.Add(GrowthCause.Reading);
        return causes;
    }
}
