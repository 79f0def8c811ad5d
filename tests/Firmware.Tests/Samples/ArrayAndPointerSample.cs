namespace LubeController.Firmware.Tests.Samples;

/// <summary>Multi-dimensional arrays, and pointers.</summary>
public static class ArrayAndPointerSample
{
    public sealed class UnusedGrid
    {
        public int[,]? Cells;
    }

    public sealed class MadeGrid
    {
        public static int Make(int size) => new int[size, size].Length;
    }

    public sealed class PointerLocal
    {
        public static unsafe int Sum(int value)
        {
            int* at = &value;
            *at += 1;
            return *at + at[0];
        }
    }

    public sealed class PinnedLocal
    {
        public static unsafe int First(int[] values)
        {
            fixed (int* at = &values[0])
            {
                int* next = at;
                next += *next;
                return *next + *at;
            }
        }
    }

    public sealed class FunctionPointer
    {
        public unsafe delegate*<int, int> Held;
    }

    public sealed class Good
    {
        public int[][] Rows = [[1, 2], [3]];

        public static void Raise(ref int value) => value++;
    }
}
