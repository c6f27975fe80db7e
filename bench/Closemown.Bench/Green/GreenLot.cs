namespace Closemown.Bench.Green;

/// <summary>What a season draws: the green, its first day, and the days on which its person is there.</summary>
/// <param name="Seed">For what the season itself draws: when and how well the turf is read.</param>
/// <param name="First">First day of the season.</param>
/// <param name="Green">The green on that day.</param>
/// <param name="Wish">What is wished of it.</param>
/// <param name="Free">Days the person is there, past the season's end too: the future of the last days is told.</param>
internal sealed record GreenLot(int Seed, DateOnly First, IGreen Green, GreenWish Wish, bool[] Free);
