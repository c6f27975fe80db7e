namespace Closemown.Web;

/// <summary>The time at which questions are asked: it stands still for five minutes, so that an answer can be given again.</summary>
internal sealed class AskingTime(TimeProvider clock)
{
    private static readonly TimeSpan Step = TimeSpan.FromMinutes(5);
    private DateTimeOffset? held;

    /// <summary>The time held, or the clock's, to the millisecond.</summary>
    public DateTimeOffset Now => held ?? Floor(clock.GetLocalNow(), TimeSpan.FromMilliseconds(1));

    /// <summary>Holds the time while a question is answered; null lets it go.</summary>
    public void Hold(DateTimeOffset? at) => held = at;

    /// <summary>The asking time now: the one before while no five minutes began since, else the beginning of these.</summary>
    public DateTimeOffset After(DateTimeOffset before)
    {
        var now = clock.GetLocalNow();
        var begun = Floor(now, Step);
        return before >= begun && before <= now ? before : begun;
    }

    private static DateTimeOffset Floor(DateTimeOffset at, TimeSpan step) => at.AddTicks(-(at.Ticks % step.Ticks));
}
