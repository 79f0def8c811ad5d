using System;
using System.Collections.Generic;
using System.IO;
using LubeController.Scripts.Running;

namespace LubeController.Cli;

/// <summary>What every command works with.</summary>
/// <param name="Bench">Where scripts run.</param>
/// <param name="Output">Takes results.</param>
/// <param name="Errors">Takes complaints.</param>
/// <param name="Progress">Draws how far a long task is; null where nobody watches.</param>
internal sealed record CommandHost(IScriptBench Bench, TextWriter Output, TextWriter Errors, Action<string>? Progress)
{
    /// <summary>Writes what is wrong with what was asked, one line each.</summary>
    public ExitCode Refuse(params IEnumerable<object> complaints)
    {
        foreach (object complaint in complaints)
            Errors.WriteLine(complaint);
        return ExitCode.BadInput;
    }
}
