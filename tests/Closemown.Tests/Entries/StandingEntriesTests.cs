using Closemown.Entries;
using CsCheck;
using Xunit;

namespace Closemown.Tests.Entries;

public sealed class StandingEntriesTests
{
    private static Entry Lap(int n, int minute) => Lines.Entry("""{"kind":"lap","minutes":2}""", n, minute);

    private static Entry Replacing(int target, int n, int minute) => Lines.Entry($$"""{"kind":"lap","minutes":3,"voids":"{{Lines.Id(target):D}}"}""", n, minute);

    private static void Stand(IEnumerable<Entry> entries, params int[] ids) =>
        Assert.Equal(ids.Select(Lines.Id), StandingEntries.Of(entries).Select(e => e.Id));

    [Fact]
    public void Without_voids_all_stand_in_order_of_time_then_id() => Stand([Lap(3, 5), Lap(2, 1), Lap(1, 5)], 2, 1, 3);

    [Fact]
    public void A_replaced_entry_falls_and_its_replacement_stands() => Stand([Lap(1, 1), Lap(2, 2), Replacing(1, 3, 3)], 2, 3);

    [Fact]
    public void A_void_just_takes_out() => Stand([Lap(1, 1), Lap(2, 2), Lines.Void(1, 3, 3)], 2);

    [Fact]
    public void A_void_may_come_before_its_target() => Stand([Lines.Void(1, 2, 0), Lap(3, 2), Lap(1, 9)], 3);

    [Fact]
    public void A_void_without_its_target_changes_nothing() => Stand([Lap(1, 1), Lines.Void(99, 2, 2)], 1);

    [Fact]
    public void Voiding_a_void_restores() => Stand([Lap(1, 1), Lines.Void(1, 2, 2), Lines.Void(2, 3, 3)], 1);

    [Fact]
    public void Voiding_that_again_takes_out_again() => Stand([Lap(1, 1), Lines.Void(1, 2, 2), Lines.Void(2, 3, 3), Lines.Void(3, 4, 4)]);

    [Fact]
    public void Voiding_a_replacement_restores_the_first() => Stand([Lap(1, 1), Replacing(1, 2, 2), Lines.Void(2, 3, 3)], 1);

    [Fact]
    public void Of_two_replacements_the_later_counts() => Stand([Lap(1, 1), Replacing(1, 2, 8), Replacing(1, 3, 4)], 2);

    [Fact]
    public void Of_two_replacements_at_one_time_the_greater_id_counts() => Stand([Lap(1, 1), Replacing(1, 2, 4), Replacing(1, 3, 4)], 3);

    [Fact]
    public void With_the_later_replacement_voided_the_earlier_counts() => Stand([Lap(1, 1), Replacing(1, 2, 2), Replacing(1, 3, 3), Lines.Void(3, 4, 4)], 2);

    [Fact]
    public void With_one_of_two_voids_voided_the_other_still_counts() => Stand([Lap(1, 1), Lines.Void(1, 2, 2), Lines.Void(1, 3, 3), Lines.Void(3, 4, 4)]);

    [Fact]
    public void In_a_ring_the_latest_counts_first() => Stand([Replacing(2, 1, 1), Replacing(1, 2, 2)], 2);

    [Fact]
    public void A_ring_is_broken_where_an_entry_outside_voids_one_of_it() => Stand([Replacing(2, 1, 1), Replacing(1, 2, 2), Lines.Void(2, 3, 0)], 1);

    [Fact]
    public void A_later_void_of_one_of_a_ring_takes_its_fellow_with_it() => Stand([Replacing(2, 1, 1), Replacing(1, 2, 2), Lines.Void(2, 3, 3)]);

    [Fact]
    public void An_entry_that_voids_itself_does_not_stand_still_being_there()
    {
        var self = Lines.Entry($$"""{"kind":"lap","minutes":3,"voids":"{{Lines.Id(1):D}}"}""", 1);
        Assert.Equal([2], StandingEntries.Of([self, Lap(2, 2)]).Select(e => e.Id == Lines.Id(2) ? 2 : 1));
    }

    [Fact]
    public void The_result_does_not_depend_on_the_order_of_arrival()
    {
        // Up to 12 entries, each perhaps voiding any other one, rings included.
        var entry = Gen.Select(Gen.Int[0, 3], Gen.Int[0, 16], Gen.Bool);
        Gen.Select(entry.Array[1, 12], Gen.Int[0, int.MaxValue - 1]).Sample((rows, seed) =>
        {
            Entry Of((int Minute, int Target, bool Void) r, int i) => r.Target == 0 || r.Target > rows.Length || r.Target == i + 1 ? Lap(i + 1, r.Minute)
                : r.Void ? Lines.Void(r.Target, i + 1, r.Minute) : Replacing(r.Target, i + 1, r.Minute);
            var entries = rows.Select(Of).ToArray();
            var sorted = StandingEntries.Of(entries).Select(e => e.Id).ToArray();
            var random = new Random(seed);
            random.Shuffle(entries);
            Assert.Equal(sorted, StandingEntries.Of(entries).Select(e => e.Id));
        }, iter: 2000);
    }

    [Fact]
    public void Without_rings_an_entry_stands_exactly_if_nothing_standing_voids_it_and_it_is_the_latest_for_its_target()
    {
        // Each entry may void one of a smaller number, so no rings; times are free. The meaning is spelled out anew, by recursion.
        var entry = Gen.Select(Gen.Int[0, 5], Gen.Int[0, 12]);
        entry.Array[1, 12].Sample(rows =>
        {
            var entries = rows.Select((r, i) => r.Item2 == 0 || r.Item2 > i ? Lap(i + 1, r.Item1) : Replacing(r.Item2, i + 1, r.Item1)).ToArray();
            bool Untouched(Entry e) => !entries.Any(v => v.Voids == e.Id && Untouched(v));
            bool Stands(Entry e) => Untouched(e)
                && !(e.Voids is { } t && entries.Any(o => o != e && o.Voids == t && Untouched(o) && EntryOrder.Instance.Compare(o, e) > 0));
            Assert.Equal(entries.Where(Stands).Order(EntryOrder.Instance).Select(e => e.Id), StandingEntries.Of(entries).Select(e => e.Id));
        }, iter: 2000);
    }
}
