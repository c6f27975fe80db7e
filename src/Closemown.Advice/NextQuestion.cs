namespace Closemown.Advice;

/// <summary>The question for the next step of a unit, with all that its answer depends on besides the book.</summary>
/// <param name="Unit">The cutting unit.</param>
/// <param name="Now">When it is asked.</param>
/// <param name="AtBench">The unit is on the bench already: opening a sitting costs nothing.</param>
/// <param name="PriceOfMinute">The price of a minute, 1 by default.</param>
public sealed record NextQuestion(string Unit, DateTimeOffset Now, bool AtBench = false, double PriceOfMinute = 1);
