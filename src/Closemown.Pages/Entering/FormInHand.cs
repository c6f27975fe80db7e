namespace Closemown.Pages;

/// <summary>A form that could not be written down as it came: held while its page is made, so that nothing typed is lost.</summary>
public sealed class FormInHand
{
    /// <summary>The form; null where none was sent.</summary>
    public FormToMend? Form { get; set; }
}

/// <summary>A form to be mended and sent again.</summary>
/// <param name="Kind">The kind of entry.</param>
/// <param name="Says">What an entry of the kind says.</param>
/// <param name="Kept">What goes with it unseen.</param>
/// <param name="Fields">What was typed.</param>
/// <param name="Faults">What is wrong.</param>
public sealed record FormToMend(string Kind, string Says, IReadOnlyList<KeyValuePair<string, string>> Kept, IReadOnlyList<FieldToMend> Fields, IReadOnlyList<FaultToMend> Faults);

/// <summary>A field as it was typed.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Label">What it says.</param>
/// <param name="Words">The words it may be; empty where it is no word.</param>
/// <param name="Values">What was typed; several of a list.</param>
/// <param name="Unit">The unit of a bare number, where the form named one; else empty.</param>
/// <param name="IsLong">Whether it is a text of several lines.</param>
public sealed record FieldToMend(string Name, string Label, IReadOnlyList<string> Words, IReadOnlyList<string> Values, string Unit, bool IsLong);

/// <summary>What is wrong.</summary>
/// <param name="Field">The field's name in the form; empty where it is none of them.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Remedy">What to do.</param>
/// <param name="MayBeRight">Whether it is only unusual: the person may stand by it.</param>
/// <param name="Choices">What may have been meant.</param>
public sealed record FaultToMend(string Field, string Message, string Remedy, bool MayBeRight, IReadOnlyList<MeantInstead> Choices);

/// <summary>What may have been meant.</summary>
/// <param name="Instead">To be sent as <c>instead</c>: field, sign of equality, number in the field's own unit.</param>
/// <param name="Written">As people write it: "0.0007 in".</param>
/// <param name="Reading">What was then meant: "a tenth of it: 17.8 µm (0.7 thou)".</param>
public sealed record MeantInstead(string Instead, string Written, string Reading);
