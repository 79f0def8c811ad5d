namespace LubeController.Cli;

/// <summary>How a command ended, as a shell or a build server sees it.</summary>
internal enum ExitCode
{
    /// <summary>Done; whatever was judged, held.</summary>
    Done = 0,

    /// <summary>Done, but something did not hold, or was not put to the test.</summary>
    NotHeld = 1,

    /// <summary>What was asked cannot be done.</summary>
    BadInput = 2,
}
