namespace Closemown.Quantities;

/// <summary>Slips that people make with units and decimals.</summary>
public enum UnitSlipKind
{
    /// <summary>A decimal place too few or too many.</summary>
    TenTimes,

    /// <summary>Thou for hundredths of a millimetre, or the other way.</summary>
    ThouOrHundredth,

    /// <summary>Inches for millimetres, or the other way.</summary>
    InchOrMm,

    /// <summary>µm for thou, or the other way.</summary>
    UmOrThou,

    /// <summary>µm for millimetres, or the other way.</summary>
    UmOrMm,

    /// <summary>Centimetres for millimetres, or the other way.</summary>
    CmOrMm,

    /// <summary>Minutes for hours, or the other way.</summary>
    MinuteOrHour,

    /// <summary>Seconds for minutes, or the other way.</summary>
    SecondOrMinute,

    /// <summary>Turns of a screw for clicks; how many clicks a turn has differs, so no value is offered.</summary>
    TurnsOrClicks,

    /// <summary>Square feet for square metres.</summary>
    SquareFootOrMetre,

    /// <summary>°F for °C.</summary>
    FahrenheitOrCelsius,

    /// <summary>km/h for m/s.</summary>
    KmHOrMs,
}
