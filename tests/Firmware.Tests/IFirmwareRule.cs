using System.Collections.Generic;
using Mono.Cecil;

namespace LubeController.Firmware.Tests;

/// <summary>
/// One construct that compiles and then misbehaves on the microcontroller. It exists because the compiler does not see
/// the gaps of the interpreter, the compiled code shows them.
/// </summary>
public interface IFirmwareRule
{
    /// <summary>Everything in a module that the rule refuses; never null.</summary>
    IEnumerable<Finding> Check(ModuleDefinition module);
}
