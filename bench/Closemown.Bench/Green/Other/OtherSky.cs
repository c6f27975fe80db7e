using Closemown.Bench.Workshop;

namespace Closemown.Bench.Green;

/// <summary>Weather of the other world: air masses that last and follow each other, each with its own warmth, rain and sun.</summary>
/// <remarks>
/// No wave of the year and no noise that fades: warmth goes over to that of the new air within days. In some seasons a high keeps
/// coming back. Assumptions.
/// </remarks>
internal static class OtherSky
{
    public const int Before = 30;

    private const double Exchange = 0.55, SpellSdC = 1.6, DaySdC = 0.9, YearSdC = 0.7, HeatsC = 0.45, MostHeatC = 3.5, RangeSdC = 1.8,
        ClearSd = 0.1;
    private const double BlockedSeason = 0.35, BlockedTimes = 2.5, Downpour = 0.07, DownpourTimes = 4;
    private const int MostDays = 18;

    public static DateOnly First(int seed)
    {
        var around = (int)(30 * (GreenChance.Uniform(seed, GreenChance.OtherWeather, -1) - 0.5));
        return new DateOnly(2013 + (seed % 5), 1, 1).AddDays(OtherClimate.Of(seed).FirstDay + around);
    }

    public static OtherDay[] Of(int seed, int days)
    {
        var (climate, first) = (OtherClimate.Of(seed), First(seed).AddDays(-Before));
        var r = Chance.Stream(seed, GreenChance.OtherWeather);
        var year = Chance.Normal(r, 0, YearSdC);
        var blocked = r.NextDouble() < BlockedSeason ? Before + r.Next(120) : int.MaxValue;
        var blockedTo = blocked == int.MaxValue ? blocked : blocked + 40 + r.Next(31);
        var sky = new OtherDay[days + Before];
        var (air, left, stood, spell, off) = (AirMass.Fronts, 0, 0, 0.0, 0.0);
        for (var i = 0; i < sky.Length; i++)
        {
            var day = first.AddDays(i).DayOfYear;
            if (left-- <= 0)
            {
                air = Next(r, climate, air, i >= blocked && i < blockedTo);
                left = (int)Math.Min(MostDays, -AirTraits.Of(air).Days * Math.Log(1 - r.NextDouble()));
                (stood, spell) = (0, Chance.Normal(r, 0, SpellSdC));
            }
            var (a, summer) = (AirTraits.Of(air), OtherClimate.Summer(day));
            // A high heats up in summer the longer it stands, and cools the nights of the rest of the year.
            var stands = air == AirMass.High ? Math.Min(MostHeatC, HeatsC * stood) * (summer ? 1 : -0.4) : 0;
            off += Exchange * ((summer ? a.SummerC : a.WinterC) + spell + stands - off);
            var rain = r.NextDouble() < a.RainChance ? Rain(r, air, a.RainMm * climate.RainTimes) : 0;
            var mean = climate.UsualC.On(day) + year + off + Chance.Normal(r, 0, DaySdC);
            var range = Math.Max(2, (climate.RangeTimes * a.RangeC) + Chance.Normal(r, 0, RangeSdC)) * (summer ? 1 : 0.85);
            var clear = Math.Clamp((a.Clear + Chance.Normal(r, 0, ClearSd)) * (rain > 2 ? 0.8 : 1), 0.12, 0.95);
            sky[i] = new(new(mean - (range / 2), mean + (range / 2), rain), clear * OtherClimate.CloudlessMj.On(day), air);
            stood++;
        }
        return sky;
    }

    private static AirMass Next(Random r, OtherClimate climate, AirMass last, bool blocked)
    {
        double Weight(AirMass m) => m == last ? 0 : climate.Comes[(int)m] * (blocked && m == AirMass.High ? BlockedTimes : 1);
        var all = Enum.GetValues<AirMass>();
        var at = r.NextDouble() * all.Sum(Weight);
        foreach (var m in all)
        {
            at -= Weight(m);
            if (at < 0) return m;
        }
        return last == AirMass.High ? AirMass.Fronts : AirMass.High;
    }

    /// <summary>Wide rain lies around its mean; of showers most are light and a few are heavy.</summary>
    private static double Rain(Random r, AirMass air, double meanMm)
    {
        if (!AirTraits.Convective(air)) return meanMm / 2 * -Math.Log((1 - r.NextDouble()) * (1 - r.NextDouble()));
        var light = -meanMm * Math.Log(1 - r.NextDouble()) / (1 + (Downpour * (DownpourTimes - 1)));
        return r.NextDouble() < Downpour ? DownpourTimes * light : light;
    }
}
