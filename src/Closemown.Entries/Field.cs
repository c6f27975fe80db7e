namespace Closemown.Entries;

/// <summary>One field of a kind of entry with the type of its value: the key by which an entry is read.</summary>
/// <typeparam name="T">double for numbers; string for words, texts and dates; bool; lists of these; <see cref="GoNoGo"/>; starting values by name.</typeparam>
/// <param name="Name">Its name in the contract.</param>
/// <param name="Form">The form its value takes in JSON.</param>
/// <param name="Help">What it means, with its unit.</param>
public sealed record Field<T>(string Name, FieldForm Form, string Help) : FieldSpec(Name, Form, Help);
