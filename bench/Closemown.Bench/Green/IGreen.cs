namespace Closemown.Bench.Green;

/// <summary>A green as it truly is, whatever laws it lives by. Strategies see none of it, but those that are told the truth.</summary>
internal interface IGreen
{
    GreenMake Make { get; }

    /// <summary>Standing height this morning, mm.</summary>
    double CanopyMm { get; }

    /// <summary>Height up to which it is brown, mm: a cut below it scalps.</summary>
    double BaseMm { get; }

    /// <summary>0 none to 3 severe.</summary>
    double Stress { get; }

    /// <summary>Watered on the last day, mm.</summary>
    double WateredMm { get; }

    bool Wilting { get; }

    /// <summary>Whether frost or water keeps everyone off on a day.</summary>
    bool KeepOff(int day);

    /// <summary>The true weather of a day of the season; days before it have negative numbers.</summary>
    SkyDay Sky(int day);

    /// <summary>What is forecast on a morning: seven days from that one on.</summary>
    SkyDay[] Forecast(int day);

    /// <summary>Cuts; gives the share removed and whether it scalped.</summary>
    (double Share, bool Scalped) Mow(double setMm, int day);

    /// <summary>The day passes, after its mowing.</summary>
    void Pass(int day);

    /// <summary>What the coming days truly bring to turf kept at a height: for the strategy that is told everything.</summary>
    (double GrowthMm, bool KeepOff, bool Wilting, double StressInput)[] Future(int day, int days, double keptMm);

    /// <summary>The green as it is now, to live on apart from this one.</summary>
    IGreen Copy();
}
