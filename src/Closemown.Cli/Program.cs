using Closemown.Cli;

return CommandLine.Run(args, Surroundings.OfThisProcess(TimeProvider.System));
