namespace Closemown.Cli;

/// <summary>The one question about words and units, before the first book is begun.</summary>
internal static class UnitsAsked
{
    private static readonly (Setting Setting, string US, string UK)[] Whole = [(Setting.Words, "us", "uk"), (Setting.Gap, "thou", "hundredth"), (Setting.Height, "fraction", "mm")];

    /// <summary>Asks, where nobody has chosen yet, and keeps what was answered in the settings; blank leaves all as it is.</summary>
    public static void Settle(Call call, Func<string, string?> ask)
    {
        if (call.Preferences.File.Path is null || Whole.Any(w => call.Preferences.Held.First(h => h.Setting == w.Setting).Source != SettingHeld.ByDefault)) return;
        while (ask("Words and units: us (reel, inches, thou, feet, F) or uk (cylinder, mm, C)? Blank for reel and mm: ")?.Trim().ToLowerInvariant() is { Length: > 0 } answer)
        {
            if (answer is not ("us" or "uk"))
            {
                call.Screen.Line("Write us or uk, or leave it blank.");
                continue;
            }
            foreach (var (setting, us, uk) in Whole) call.Preferences.File.Set(setting.Name, answer == "us" ? us : uk);
            call.PreferencesChanged();
            return;
        }
    }
}
