namespace Closemown.Web;

/// <summary>Looks each second whether another program has changed the book.</summary>
internal sealed class Lookout(Workshop workshop, ILogger<Lookout> log) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Every);
        var ill = false;
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                workshop.Look();
                ill = false;
            }
            catch (Book.BookException e)
            {
                if (!ill) log.LogWarning("The book cannot be read: {Trouble}", e.Trouble);
                ill = true;
            }
        }
    }
}
